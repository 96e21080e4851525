import type { Server } from "node:http";
import type { Server as SecureServer } from "node:https";

/** @param root Folder to serve. @returns a server that does not listen yet. */
export function staticServer(root: string): Server;

/** @param certificate PEM. The certificate itself is served too, for a device to trust. */
export function secureServer(root: string, certificate: { cert: string; key: string }): SecureServer;
