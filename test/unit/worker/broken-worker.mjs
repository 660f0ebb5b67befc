/* A worker that cannot even be loaded. */
throw new Error('nothing works here');
