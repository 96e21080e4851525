/** Ids of elements that may get the focus from elsewhere in the editor. */
import type { PartId } from "./useEditor";

export const titleId = (step: string): string => `step-${step}`;
export const headId = (part: PartId): string => `part-${part}`;
export const fieldId = (step: string): string => `step-${step}-show`;
