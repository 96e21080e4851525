/** First of all imports: the page forbids evaluation, so schemas are told not to try before one of them is made. */
import { config } from "zod";

config({ jitless: true });
