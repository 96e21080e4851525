/** The ear of one language, and whether its phrase model is there yet. */
import type { AvailabilityStatus } from "../webSpeech/vocabulary";
import type { EarPort } from "./port";

export class LanguageEar {
  readonly port: EarPort;
  /** SHA-256 of the phrase model once it is loaded; null where it cannot be used. */
  readonly model: Promise<string | null>;
  #availability: AvailabilityStatus = "downloading";
  #unusableBecause: string | null = null;

  constructor(port: EarPort) {
    this.port = port;
    this.model = new Promise((settle) => {
      port.onReport((report) => {
        if (report.type === "ready") {
          this.#availability = "available";
          settle(report.digest);
        }
        if (report.type === "unusable") {
          this.#availability = "unavailable";
          this.#unusableBecause = report.message;
          settle(null);
        }
      });
    });
  }

  get availability(): AvailabilityStatus {
    return this.#availability;
  }
  get unusableBecause(): string | null {
    return this.#unusableBecause;
  }
}
