/**
 * What a take teaches beside itself. For its phrase: over a machine, and slower or quicker. For nothing: begun like it and ended
 * like another phrase, and the other way round, for a head that knows a voice takes such things for phrases more than before
 * (measured: audio/make/MODEL_CARD.md, "After teaching"). Pure but for the network's own rows.
 */
import type { AddressWord, CommandId } from "../../intent/phrases";
import { seededRandom } from "../../rehearsal/random";
import type { PhraseModel } from "../network/loadModel";
import type { PhraseNet } from "../network/phraseNet";
import { headOf } from "../network/weightsOf";
import { Joint } from "./joint";
import { outputsOf, type Take } from "./learn";
import { overMachine } from "./machineNoise";
import { atPace, crossed, middleOf, type Said } from "./splice";
import { type Moment, momentsOf } from "./summaries";

export interface SaidPhrase extends Said {
  readonly command: CommandId;
}

export interface Lesson {
  readonly noisy: Take;
  readonly paced: Take;
  /** Of each crossing the moment that comes nearest to a phrase; none while only one phrase was said. */
  readonly crossings: readonly Float32Array[];
}

const machineDb = 10;
const pacedMachineDb = 7;
const paces = [0.92, 1.08] as const;

/** @param before other takes, of this phrase and of others. @param count of the takes before it: each is treated another way. */
export function lessonOf(
  model: PhraseModel,
  net: PhraseNet,
  address: AddressWord,
  said: SaidPhrase,
  before: readonly SaidPhrase[],
  count: number,
): Lesson {
  const random = seededRandom(7919 * (count + 1));
  const machined = (sound: Float32Array, ratioDb: number) => overMachine(sound, ratioDb, Math.floor(1e6 * random()));
  const heard = ({ sound, endMs }: Said): Take => ({ command: said.command, endMs, moments: momentsOf(net, sound) });
  const noisy = heard({ ...said, sound: machined(said.sound, machineDb) });
  const other = atPace(said, paces[count % 2] as number);
  const paced = heard(count % 4 < 2 ? other : { ...other, sound: machined(other.sound, pacedMachineDb) });
  const others = before.filter(({ command }) => command !== said.command);
  const another = others[Math.floor(random() * others.length)];
  if (another === undefined) return { noisy, paced, crossings: [] };
  const middle = ({ command }: SaidPhrase) => middleOf(address, command, model.file.outputs.language);
  const clean = crossed(said, another, [middle(said), middle(another)]).sound;
  const over = machined(crossed(another, said, [middle(another), middle(said)]).sound, machineDb);
  return { noisy, paced, crossings: [clean, over].map((sound) => nearestToPhrase(model, momentsOf(net, sound))) };
}

function nearestToPhrase(model: PhraseModel, moments: readonly Moment[]): Float32Array {
  const joint = new Joint(headOf(model), outputsOf(model));
  const none = moments.map(({ summary }) => {
    joint.see(summary);
    return joint.none;
  });
  return (moments[none.indexOf(Math.min(...none))] as Moment).summary;
}
