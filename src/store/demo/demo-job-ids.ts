/** The two jobs of the demo. Its ids are the same everywhere, so that adding it twice adds it once. */
export const demoJobIds = ['demo-outfit-7', 'demo-trailer-hub'] as const;
