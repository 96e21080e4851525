/**
 * Before each file of unit tests: properties draw the same examples in every run, so that what passed once passes wherever
 * the same commit is tested. `SEED=random` draws fresh ones (`npm run properties`), `SEED=-12` those of a run that named it.
 */
import { configureGlobal } from "fast-check";
import { runs } from "./runs";

const asked = process.env.SEED ?? "20261126";
if (asked !== "random" && !/^-?\d+$/.test(asked))
  throw new Error(`SEED is "${asked}": give a whole number, or "random".`);
configureGlobal({ numRuns: runs(100), ...(asked === "random" ? {} : { seed: Number(asked) }) });
