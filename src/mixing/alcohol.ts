/**
 * Alcohol by mass and by volume are different numbers for the same liquid. The densities are inputs, with their
 * temperature, because the answer moves with them; the app itself never guesses one from the other.
 */
import { type Ratio, ratio } from "../sums/ratio";

export type Densities = {
  /** g/mL of pure ethanol and of the mixture, at the same temperature. */
  readonly ethanol: Ratio;
  readonly mixture: Ratio;
};

/** % v/v = % w/w × mixture density / ethanol density. */
export function volumeFromMass(percentMass: Ratio, { ethanol, mixture }: Densities): Ratio {
  return percentMass.mul(mixture).div(ethanol);
}

/** % w/w = % v/v × ethanol density / mixture density. */
export function massFromVolume(percentVolume: Ratio, { ethanol, mixture }: Densities): Ratio {
  return percentVolume.mul(ethanol).div(mixture);
}

/** 60-90 % v/v kills bacteria best, with a sharp drop below 50 % (CDC 2008 disinfection guideline; from memory). */
export function inBactericidalRange(percentVolume: Ratio): boolean {
  return percentVolume.gte(ratio(60)) && percentVolume.lte(ratio(90));
}
