/** Runs of a property: as many as its file says, or `RUNS` times that. `RUNS=10 npx vitest run FILE --testTimeout=0` looks longer. */
const times = Number(process.env.RUNS ?? 1);

export const runs = (usual: number): number => Math.max(1, Math.round(usual * times));
