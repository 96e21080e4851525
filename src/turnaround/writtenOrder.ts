/**
 * Among all plans of the best value, the one closest to the written order: at each place the first task in writing that
 * some best plan can have there. A known best plan answers for its own task; only earlier ones have to be asked about,
 * each by a search that ends at the first plan as good. What one such search excludes, the next need not look at again.
 */

import type { Beginning } from "./beginning";
import { Seen } from "./dominance";
import type { Model } from "./model";
import { continuations, rewettings } from "./next";
import { type Bound, Search } from "./search";
import { chainOf } from "./timing";
import { asGoodAs, mayBeat, type Value, worthOf } from "./value";

export class WrittenOrder {
  nodes = 0;
  finished = false;
  /** A plan of the best value, ever closer to the written order. */
  best: Beginning;
  private readonly model: Model;
  private readonly bound: Bound;
  private readonly limit: Value;
  private readonly excluded: Seen;
  /** All ways, by glove changes and re-wettings, to have done the settled tasks in the settled order. */
  private settled: Beginning[];
  private place = 0;
  private candidate = 0;
  private search: Search | undefined;

  constructor(model: Model, bound: Bound, root: Beginning, best: Beginning) {
    this.model = model;
    this.bound = bound;
    this.best = best;
    this.limit = asGoodAs(worthOf(best));
    this.excluded = new Seen(model);
    this.settled = [root];
  }

  run(nodes: number): void {
    const end = this.nodes + nodes;
    while (!this.finished && this.nodes < end) {
      if (this.place >= this.model.n) this.finished = true;
      else if (this.search) this.ask(this.search, end - this.nodes);
      else this.propose();
    }
  }

  /** The next task in writing that could stand at this place, up to the one the known plan has there. */
  private propose(): void {
    const known = this.tasksOf(this.best)[this.place] ?? 0;
    if (this.candidate === known) {
      this.settle(known);
      return;
    }
    const ways = this.waysTo(this.candidate);
    if (ways.length === 0) this.candidate++;
    else this.search = new Search(this.model, this.bound, ways, this.limit, this.excluded);
  }

  private ask(search: Search, nodes: number): void {
    const before = search.nodes;
    search.run(nodes, true);
    this.nodes += search.nodes - before;
    if (search.best) {
      this.best = search.best;
      this.search = undefined;
    } else if (search.finished) {
      this.excluded.addAll(search.seen);
      this.search = undefined;
      this.candidate++;
    }
  }

  private settle(task: number): void {
    this.settled = this.waysTo(task);
    this.place++;
    this.candidate = 0;
    this.nodes++;
  }

  private waysTo(task: number): Beginning[] {
    const ways: Beginning[] = [];
    let from = this.settled;
    while (from.length > 0) {
      for (const at of from) ways.push(...this.good(continuations(this.model, at, task)));
      from = from.flatMap((at) => this.good(rewettings(this.model, at)));
    }
    return ways;
  }

  private good(beginnings: readonly Beginning[]): Beginning[] {
    return beginnings.filter((at) => this.bound(at) && mayBeat(at, this.limit));
  }

  private tasksOf(plan: Beginning): number[] {
    return chainOf(plan)
      .map((one) => one.action)
      .filter((action) => action >= 0 && action < this.model.n);
  }
}
