import { configure } from '@testing-library/preact';

// A wait ends when what it waits for is there. How long that may take is no fact of the trade: a busy machine takes its time.
configure({ asyncUtilTimeout: 30_000 });
