/** The pages between sessions. One line here registers one; the compiler then asks for its screen, its name and its lead. */

/** In the order in which the way shows them. */
export const pageGroups = ["session", "studio", "rules", "device"] as const;
export type PageGroup = (typeof pageGroups)[number];

const groupOfPage = {
  prepare: "session",
  records: "session",
  protocols: "studio",
  verify: "session",
  accident: "rules",
  shelf: "studio",
  mixing: "studio",
  steriliser: "studio",
  hands: "rules",
  due: "rules",
  place: "rules",
  keeping: "device",
  welcome: "device",
  voice: "device",
  settings: "device",
} as const satisfies Record<string, PageGroup>;

export type PageId = keyof typeof groupOfPage;

/** The form of the next session keeps what was typed while others are looked at, so it is not one of these. */
export type OtherPageId = Exclude<PageId, "prepare">;

export const pageIds = Object.keys(groupOfPage) as readonly PageId[];
export const pagesOf = (group: PageGroup): readonly PageId[] => pageIds.filter((id) => groupOfPage[id] === group);

/** A page stands in the address, so that "back" goes back and a reload stays. What follows a slash is the page's own. */
export const addressOf = (id: PageId, rest?: string): string =>
  rest === undefined ? `#${id}` : `#${id}/${encodeURIComponent(rest)}`;

export function pageAt(hash: string): { readonly id: PageId; readonly rest: string | null } {
  const [name, ...rest] = hash.replace(/^#/, "").split("/");
  const id = pageIds.find((known) => known === name);
  return { id: id ?? "prepare", rest: id && rest.length > 0 ? readable(rest.join("/")) : null };
}

/** An address can be typed by hand, and wrongly. */
function readable(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}
