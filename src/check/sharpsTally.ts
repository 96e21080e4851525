/** The sharps counted one by one while a step is judged, as the fold of its facts would. */
import type { Effect } from "../session/protocol";
import type { World } from "../session/world";
import type { RuleId } from "./rules";
import type { SharpsState } from "./sharps";

export class SharpsTally {
  private used: number;
  private parked: number;
  constructor({ opened, binned, parked }: World["sharps"]) {
    this.used = opened - binned - parked;
    this.parked = parked;
  }
  out(): number {
    return this.used + this.parked;
  }
  state(): SharpsState {
    const few = (n: number) => Math.min(2, n) as 0 | 1 | 2;
    return { used: few(this.used), parked: few(this.parked), everOpened: true, counted: false };
  }
  moves(effect: Effect): RuleId[] {
    const { used } = this;
    switch (effect.verb) {
      case "open":
        this.used += 1;
        return used > 0 ? ["oldNeedleFirst"] : [];
      case "discard":
        if (effect.all) {
          this.used = 0;
          this.parked = 0;
        } else if (used > 0) this.used -= 1;
        else this.parked = Math.max(0, this.parked - 1);
        return [];
      case "park":
        if (used > 0) {
          this.used -= 1;
          this.parked += 1;
        }
        return [];
      case "unpark":
        if (this.parked > 0) {
          this.parked -= 1;
          this.used += 1;
        }
        return [];
      case "breakSkin":
        return used === 0 ? ["needleInUse"] : [];
      default:
        return [];
    }
  }
}
