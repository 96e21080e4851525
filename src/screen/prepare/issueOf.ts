/** Finds what is wrong with one field. */
import type { Issue, IssueCode } from "./draft";

export const issueOf = (issues: readonly Issue[], field: string): IssueCode | null =>
  issues.find((issue) => issue.field === field)?.code ?? null;
