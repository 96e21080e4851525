/** The words of the client's part of a record in Spanish. */
import type { PersonalWords } from ".";

export const personalEs: PersonalWords = {
  title: "La parte del cliente",
  notes: "Notas habladas",
  client: {
    kept: (reference) => `Referencia ${reference}, guardada junto a la cadena.`,
    inHeader: (reference) =>
      `Referencia ${reference}. Está en la propia cadena: este registro se hizo antes de guardarlas aparte, y solo se puede quitar con todo el registro.`,
    erased: () => "La referencia se borró.",
    notIncluded: () => "La referencia no está en este dispositivo.",
    none: () => "No se dio ninguna referencia.",
  },
  note: (clock, seconds) => `Nota a las ${clock}, ${seconds} s`,
  noteErased: "borrada",
  noteNotHere: "no está en este registro",
  erase: "Borrar la parte del cliente",
  eraseNote: "Borrar esta nota",
  sure: "Esto no se puede deshacer.",
  about:
    "El registro se sigue verificando y dice que esto se borró. Los archivos, papeles y copias de antes aún lo tienen: haz una copia nueva y destruye las viejas. Los archivos del navegador pueden guardar un rastro hasta que los limpie.",
  eraseNow: "Borrar para siempre",
  keep: "Conservarla",
  notErased: (why) => `No se borró: ${why}`,
};
