import * as z from 'zod/mini';

// Imported before any schema is built: zod otherwise tries `new Function`, which the content security policy forbids.
z.config({ jitless: true });
