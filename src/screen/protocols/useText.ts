/** A protocol's words in the language of the screen; English where it has none in that. */
import type { Text } from "../../session/protocol";
import { useShared } from "../useModel";

export function useText(): (text: Text) => string {
  const { language } = useShared();
  return (text) => text[language] ?? text.en;
}
