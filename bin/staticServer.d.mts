import type { Server } from "node:http";

/** @param root Folder to serve. @returns a server that does not listen yet. */
export function staticServer(root: string): Server;
