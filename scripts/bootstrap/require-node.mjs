// Imported first by every command: old Node versions must get a sentence, not a stack trace.
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);

if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Reelkin needs Node.js 20.19 or later; this is ${process.versions.node}. Install a newer one from your usual source (https://nodejs.org) and run the command again.`,
  );
  process.exit(1);
}
