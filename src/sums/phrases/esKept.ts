/** Why the studio's store kept nothing, in Spanish. */
import type { SumPhrases } from ".";

export const keptEs: SumPhrases["kept"] = {
  wrongShape: (row) => `${row} no tiene la forma que le toca.`,
  unreadable: (row) => `${row} no se puede leer y no se sobrescribe.`,
  noRoom: "Al dispositivo no le queda sitio. No se guardó nada.",
  noAnswer: (name) => `El almacén del estudio no responde. No se guardó nada. ${name}`.trim(),
};
