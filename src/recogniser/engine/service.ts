/** An ear that takes orders: what runs behind a port, in a worker or on the spot. */

import type { CommandId } from "../../intent/phrases";
import { Nearness } from "../decision/nearness";
import { Ear } from "../ear";
import { EchoCanceller } from "../echo/echoCanceller";
import type { Heard, Rising } from "../heard";
import type { PhraseModel } from "../network/loadModel";
import { PhraseNet } from "../network/phraseNet";
import type { OwnVoice } from "../ownVoice/ownVoice";
import type { EarOrder, EarReport } from "./port";
import { sharedNowMs } from "./port";

const behindMs = 500;
const behindEveryMs = 5000;

export class EarService {
  readonly #model: PhraseModel;
  readonly #net: PhraseNet;
  readonly #report: (report: EarReport) => void;
  readonly #nowMs: () => number;
  /** It outlives a run: the room stays the same. */
  #own: OwnVoice | null = null;
  readonly #canceller = new EchoCanceller();
  readonly #nearness = new Nearness();
  #open: { readonly run: number; readonly ear: Ear; readonly interim: boolean } | null = null;
  #rising: CommandId | null = null;
  #toldBehindAtMs = Number.NEGATIVE_INFINITY;

  constructor(model: PhraseModel, report: (report: EarReport) => void, nowMs: () => number = sharedNowMs) {
    this.#model = model;
    this.#net = new PhraseNet(model);
    this.#net.hearSilence();
    this.#report = report;
    this.#nowMs = nowMs;
  }

  get isFast(): boolean {
    return this.#net.isFast;
  }

  /** Orders before the first "open" are passed over, but for what an ear is told of the artist. */
  take(order: EarOrder): void {
    if (order.type === "own") {
      this.#own = order.own;
      return;
    }
    if (order.type === "artist") {
      this.#nearness.artist = order.speechDb;
      return;
    }
    if (order.type === "open") {
      const ear = new Ear({
        model: this.#model,
        net: this.#net,
        address: order.address,
        rateHz: order.rateHz,
        canceller: this.#canceller,
        nearness: this.#nearness,
        own: this.#own,
      });
      ear.allow(order.permitted, order.refusable);
      this.#open = { run: order.run, ear, interim: order.interim === true };
      this.#rising = null;
      return;
    }
    if (this.#open === null) return;
    const { run, ear } = this.#open;
    if (order.type === "sound") {
      this.#tell(run, ear.listen(order.samples, order.played));
      if (this.#open.interim) this.#tellRising(run, ear.rising);
      this.#tellIfBehind(run, this.#nowMs() - order.sentAtMs);
    } else if (order.type === "gap") ear.gap(order.lostMs);
    else if (order.type === "allow") ear.allow(order.permitted, order.refusable);
    else if (order.type === "guard") ear.guard(order.commands);
    else if (order.type === "address") ear.address = order.address;
    else {
      this.#tell(run, ear.finish());
      this.#open = null;
      this.#report({ type: "finished", run });
    }
  }

  #tell(run: number, heard: readonly Heard[]): void {
    for (const one of heard) this.#report({ type: "heard", run, heard: one });
  }

  /** Only when it has become another: a page needs no dozen messages a second to show a word. */
  #tellRising(run: number, rising: Rising | null): void {
    const command = rising?.command ?? null;
    if (command === this.#rising) return;
    this.#rising = command;
    this.#report({ type: "rising", run, rising });
  }

  #tellIfBehind(run: number, lagMs: number): void {
    const nowMs = this.#nowMs();
    if (lagMs < behindMs || nowMs - this.#toldBehindAtMs < behindEveryMs) return;
    this.#toldBehindAtMs = nowMs;
    this.#report({ type: "behind", run, behindMs: lagMs });
  }
}
