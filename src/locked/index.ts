/** Locked with a passphrase: what is nobody's but the one's who knows it. */
export * from "./locked";
