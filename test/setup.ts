import fc from 'fast-check';

// The same cases each time: a run that fails can be run again. PROPERTY_SEED digs elsewhere.
fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 4) });
