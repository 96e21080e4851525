/**
 * The stop before the skin is touched: who, how old, agreed, known risks, skin. Looked at with hands kept to oneself;
 * the client holds what is to be read. Health answers are read silently and never spoken.
 */
import type { Step } from "../protocol";
import { must } from "./writing";

export const clientTimeOut = (): Step[] => [
  must("clientIdentityAndAge", {
    say: [
      "Look at the client's photo document: same person, old enough.",
      "Mira el documento con foto: misma persona y edad legal.",
    ],
    show: ["Identity and age", "Identidad y edad"],
    caution: [
      "Local law sets the age. Do not touch the document.",
      "La ley local fija la edad. No toques el documento.",
    ],
    sec: 20,
  }),
  must("clientConsent", {
    say: [
      "Check the consent: signed today, right design, right place.",
      "Revisa el consentimiento: firmado hoy, diseño y zona correctos.",
    ],
    show: ["Consent signed", "Consentimiento firmado"],
    sec: 20,
  }),
  must("clientHealth", {
    say: [
      "Read the health and allergy answers silently. Do not say them.",
      "Lee en silencio las respuestas de salud y alergias.",
    ],
    show: ["Read health answers silently", "Leer salud en silencio"],
    caution: [
      "In doubt, do not begin: the client asks a clinician first.",
      "En caso de duda, no empieces: el cliente consulta antes a un médico.",
    ],
    sec: 40,
  }),
  must("clientSkin", {
    say: ["Look at the skin: whole and calm where you will work.", "Mira la piel: íntegra y tranquila en la zona."],
    show: ["Look at the skin", "Mirar la piel"],
    caution: ["Never over a wound, a rash or an infection.", "Nunca sobre una herida, erupción o infección."],
    sec: 20,
  }),
];
