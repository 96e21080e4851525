/** Las palabras del archivo en español: buscar sesiones, y guardar lo que tiene este dispositivo. */
import type { ArchiveWords } from ".";

export const archiveEs: ArchiveWords = {
  records: {
    ask: "Qué buscar",
    askHint: "Deja vacío lo que no importa. Un lote se encuentra por su comienzo; guiones y espacios no cuentan.",
    lot: "Lote",
    product: "Producto",
    client: "Referencia del cliente",
    from: "Desde",
    to: "Hasta",
    deviation: "Desviación",
    any: "cualquiera",
    clear: "Buscar todo",
    found: "Sesiones",
    searching: "Buscando…",
    none: "Ninguna sesión de este dispositivo responde a esto. Otro dispositivo puede tener una.",
    count: (count: number) => (count === 1 ? "1 sesión" : `${count} sesiones`),
    more: (shown: number, count: number) =>
      `Se muestran las ${shown} más nuevas de ${count}. La tabla y la lista las tienen todas.`,
    csv: "Guardar como tabla (CSV)",
    print: "Imprimir la lista de retirada",
    mend: "Rehacer el índice",
    mended: (count: number) =>
      count === 1 ? "Rehecho desde el registro: 1 sesión." : `Rehecho desde el registro: ${count} sesiones.`,
    sealed: "sellada",
    unfinished: "sin terminar",
    ofAnother: "de otro dispositivo",
    noLots: "sin lotes",
    deviations: (count: number) =>
      count === 0 ? "sin desviaciones" : count === 1 ? "1 desviación" : `${count} desviaciones`,
    sheet: {
      title: "Lista de retirada",
      asked: (asked: string) => `Se buscó: ${asked}`,
      everything: "todas las sesiones",
      made: (day: string) => `Hecha el ${day}, solo con los registros de este dispositivo.`,
      caution:
        "Una lista para empezar. La etiqueta, el aviso del fabricante, las normas locales y un médico dicen qué hay que hacer, y por quién.",
      columns: {
        day: "Día",
        client: "Cliente",
        station: "Puesto",
        artist: "Artista",
        lots: "Lotes",
        told: "Avisado el, por",
      },
    },
  },
};
