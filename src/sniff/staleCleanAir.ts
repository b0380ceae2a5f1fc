/** Clean air older than this no longer stands for now: baselines wander within minutes. Common practice. */
export const STALE_CLEAN_AIR_MS = 120_000;
