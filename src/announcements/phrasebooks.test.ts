/** What must hold of the sentences in every language. */
import { describe, expect, it } from "vitest";
import { type CommandId, commandIds } from "../intent/phrases";
import { wordings } from "../intent/wording";
import { DeviationCode, RefusalReason } from "../session/fact";
import { eventIds, everyStep } from "../session/protocol";
import { bundledProtocols } from "../session/protocols";
import { clipKey } from "./clips";
import { phrasebookTexts } from "./everyText";
import { bookFor, spokenLanguages } from "./phrasebooks";
import { sayTimeUp, sayWipedEarly } from "./sayClock";
import { sayDeviation, sayEvent, sayKept, sayRefused } from "./sayNotice";
import { askItem } from "./sayQuestion";
import { textOf, wordCount } from "./utterance";

const chair = { id: "chair", calledAs: { en: "chair", es: "silla" } };
const lamp = { id: "lamp", calledAs: { en: "lamp", es: "lámpara" } };

describe.each(spokenLanguages)("sentences in %s", (language) => {
  const book = bookFor(language);
  const name = language === "en" ? "Chair" : "Silla";

  it("give the reason and the way on for every refusal", () => {
    const said = RefusalReason.options.map((reason) => textOf(sayRefused(book, reason, null)));
    expect(said.filter((text) => (text.match(/[.!?]( |$)/g)?.length ?? 0) < 2)).toEqual([]);
  });

  it("begin with the item wherever there is one", () => {
    const said = [
      ...RefusalReason.options.map((reason) => sayRefused(book, reason, chair)),
      ...DeviationCode.options.map((code) => sayDeviation(book, code, chair)),
    ].map(textOf);
    expect(said.filter((text) => !text.startsWith(`${name}: `))).toEqual([]);
  });

  it("echo in at most three words", () => {
    const kept = Object.keys(book.kept) as (keyof typeof book.kept)[];
    const echoes = [...eventIds.map((event) => sayEvent(book, event)), ...kept.map((each) => sayKept(book, each))];
    expect(echoes.filter((echo) => wordCount(echo) > 3).map(textOf)).toEqual([]);
  });

  it("never hold an address word of the language, so that the companion cannot call itself", () => {
    const addresses = Object.values(wordings[language].addresses);
    // To teach a phrase it is said as it will be said back; the ear is told what is being said and does not act on it.
    const said = phrasebookTexts(book).filter((text) => !addresses.includes(text));
    const texts = [
      ...said,
      ...bundledProtocols.flatMap((protocol) =>
        everyStep(protocol).map(({ step }) => step.say[language] ?? step.say.en),
      ),
    ];
    const heard = texts.filter((text) =>
      addresses.some((word) => new RegExp(`(^|\\P{L})${word}($|\\P{L})`, "iu").test(text)),
    );
    expect(heard).toEqual([]);
  });

  it("hold the words of a command only where they offer it, so that nobody says a command for an answer", () => {
    const offered: readonly CommandId[] = [
      ...(["yes", "no", "confirm", "resume", "finish", "close"] as const),
      ...(["reasonNotForClient", "reasonNoStock", "reasonOwnDecision"] as const),
    ];
    const wholeCommands = Object.values(wordings[language].commands);
    const sentences = phrasebookTexts(book).filter(
      (text) => !wholeCommands.some((words) => clipKey(words) === clipKey(text)),
    );
    const unasked = commandIds
      .filter((id) => !offered.includes(id))
      .flatMap((id) => sentences.filter((text) => clipKey(text).includes(clipKey(wordings[language].commands[id]))));
    expect(unasked).toEqual([]);
  });

  it("keep slots out of sentences that take none", () => {
    expect(phrasebookTexts(book).filter((text) => /[{}]/.test(text))).toEqual([]);
  });

  it("have every text of the bundled protocols", () => {
    const missing = bundledProtocols.flatMap((protocol) => [
      ...protocol.items
        .filter(({ calledAs, name: shown }) => !calledAs[language] || !shown[language])
        .map(({ id }) => id),
      ...everyStep(protocol)
        .filter(({ step }) => !step.say[language] || !step.show[language] || (step.caution && !step.caution[language]))
        .map(({ step }) => step.id),
    ]);
    expect(missing).toEqual([]);
  });
});

describe("Spanish", () => {
  const es = bookFor("es");

  it("opens a question with its mark and a capital, and joins items with y", () => {
    expect(textOf(askItem(es, lamp, true))).toBe("¿Cuál? ¿Lámpara?");
    expect(textOf(sayTimeUp(es, [chair, lamp]))).toBe("Silla y lámpara: tiempo. ¿Siguió todo mojado?");
  });

  it.each([
    [1, "diez segundos"],
    [50_001, "un minuto"],
    [60_001, "un minuto y medio"],
    [600_001, "once minutos"],
    [1_260_000, "veintiún minutos"],
    [1_860_000, "treinta y un minutos"],
    [3_600_001, "más de una hora"],
  ])("says %d ms as %s, never too short", (ms, words) => {
    expect(es.duration(ms)).toBe(words);
  });

  // Diccionario panhispánico de dudas, "cardinales" (RAE), from memory: 16-29 in one word, from 31 with "y".
  it.each([
    [16, "dieciséis"],
    [22, "veintidós"],
    [31, "treinta y uno"],
    [100, "cien"],
    [101, "ciento uno"],
    [555, "quinientos cincuenta y cinco"],
    [999, "novecientos noventa y nueve"],
  ])("writes %d as %s", (value, words) => {
    expect(es.number(value)).toBe(words);
  });

  it("says how much is missing", () => {
    expect(textOf(sayWipedEarly(es, 60_001, chair))).toBe("Silla: un minuto y medio de menos, vuelve a mojar.");
  });
});
