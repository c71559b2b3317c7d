import { startHomeWorker, type WorkerScope } from './store/home/in-worker.ts';

// The DOM types that the rest of the app needs have no worker's scope.
declare const self: WorkerScope;

void startHomeWorker(self);
