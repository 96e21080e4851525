/**
 * What is said in a studio and is no command: talk of our own, written for this benchmark and in no list that training
 * reads, and near misses made of the phrases themselves.
 */
import { type AddressWord, addressWords, commandIds, commands } from "../../../src/intent/phrases";

export const chat: readonly string[] = `
the bus was twenty minutes late this morning|we could make the stem a little longer|is the heating on in here
I had pancakes for breakfast|she moved into a flat by the river|that song reminds me of summer|could you lift your arm
he is learning to play the trumpet|the left one came out darker|how many sessions will it take|I brought my own water
my neighbour keeps bees on the roof|put your foot on the rest|we ran out of coffee|it stings more near the bone
the cat knocked over a plant|what does the lettering say|they painted the hallway green|I will be back in ten minutes
do you mind if I eat something|the appointment was at two|her birthday is in november|that needle feels finer
we watched the rain from the balcony|you should see the other arm|my knee is falling asleep|is it swollen
he wrote the name on a napkin|can I see the stencil again|the doctor said it was nothing|we went camping by the lake
I like the one with the mountain|turn over onto your stomach|there is a queue outside|the printer is out of paper
somebody left their umbrella|the record shop closed last year|I always wanted a compass|it looks better in person
can you feel that|let me wipe this for a second|I have to pick up the children|the dentist was worse than this
the battery lasts about a day|what kind of machine is that|he spilled something on the carpet|you can sit up now
the companion app never worked for me|my travel companion got lost|a good companion for long walks
the station was closed because of snow|we met at the railway station|that radio station only plays old songs
the workbench in the garage is full|he repaired the chair on his workbench|a workbench would not fit in there
they completed the bridge in spring|say that part once more|the previous owner had a dog|leave some for me
the problem is the parking|hold the door please|so many minutes by train|where are we going tonight
what remains of the cake is yours|I would definitely go again|the mistake was mine|nothing in the fridge
it was not my decision|they sprayed the fields|wipe your shoes please|a pair of gloves under the bench
the finger healed well|there was a barrier across the road|another coffee please|park next to the van
a bit of extra colour would be nice|the vase fell on the floor|nobody touched the cheese|take a picture of the sky
swap seats with me|we took a break at noon|the client before me was funny|welcome to the party|I felt dizzy on the boat
the ending was sad|he sent a memo about it|the painting is finished|seal the envelope|an accident on the motorway
speak slowly please|softer pillows would help|the alarm goes off at six`
  .trim()
  .split(/[|\n]/);

/** Longer words that begin or end like an address word. */
const soundAlike = (
  "nation patience relation location vacation stationary staging statement occasion situation starting work " +
  "workbook workman workplace bench champion company companions compassion opinion campaign comparison"
).split(" ");

const phrases = commandIds.map((id) => commands[id].split(" "));
const known = new Set(Object.values(commands) as string[]);

/**
 * One near miss: a station's own address word with a command cut short, begun late, crossed with another or followed by
 * talk; a whole command behind a word like the address, or behind none.
 */
export function nearMiss(address: AddressWord, random: () => number): string {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  const [a, b] = [pick(phrases), pick(phrases)];
  const cut = 1 + Math.floor(random() * Math.max(1, a.length - 1));
  const kinds: readonly (() => string)[] = [
    () => `${address} ${a.length > 1 ? a.slice(0, cut).join(" ") : ""}`,
    () => `${address} ${a.length > 1 ? a.slice(cut).join(" ") : ""}`,
    () => crossed(address, [...a.slice(0, cut), ...b.slice(Math.min(cut, b.length - 1))]),
    () => `${pick(soundAlike)} ${a.join(" ")}`,
    () => a.join(" "),
    () => `${address} ${pick(chat)}`,
    () => `the ${a.join(" ")} ${b.join(" ")}`,
    () => `${pick(addressWords)} and ${pick(addressWords)}`,
  ];
  return pick(kinds)().trim();
}

/** A crossing may be a command, or begin with one, and then it is said rightly: the address word alone instead. */
const crossed = (address: string, words: readonly string[]): string =>
  words.some((_, n) => known.has(words.slice(0, n + 1).join(" "))) ? address : `${address} ${words.join(" ")}`;
