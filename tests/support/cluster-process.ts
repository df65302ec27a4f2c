import { startEmbeddedCluster } from '@/lib/data/embedded-cluster';

/** A program for tests to kill: starts the embedded PostgreSQL of the folder it is given, says so and waits. */
const [, , dataFolder = ''] = process.argv;
await startEmbeddedCluster({ dataFolder, report: () => {} });
console.log('started');
setInterval(() => {}, 1000);
