/** Imported before anything else: on an older Node the next line would fail with an error of the language, not a reason. */

/** What the build and the tests run on: 20 from 20.19 on, 22 from 22.12 on, and later ones. */
export function isRightNode(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
}

if (!isRightNode(process.versions.node)) {
  console.error(
    `Slipfit needs Node 20.19, 22.12 or a later one, and this is Node ${process.versions.node}: install a later Node, then do the same again.`,
  );
  process.exit(1);
}
