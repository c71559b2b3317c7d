/** Why npm did not finish, from what it wrote: one sentence, and what to do. Its own codes, as npm 8 to 11 write them. */
export function whyNpmFailed(written) {
  const code = /^npm (?:error|ERR!) code (\S+)/m.exec(written)?.[1] ?? '';
  const path = /^npm (?:error|ERR!) path (.+)$/m.exec(written)?.[1];
  const place = path === undefined ? '' : ` (${path})`;
  if (code === 'ENOSPC') return 'the disk is full. Make room, then do the same again.';
  if (notWritable.has(code) && /_cacache|_logs|[\\/]cache\b|cache folder/i.test(written))
    return `npm can't write its cache${place}. Name another folder for it: npm_config_cache=<folder> npm start`;
  if (notWritable.has(code))
    return `npm can't write here${place}. Own the folder, or copy Slipfit to one that is yours.`;
  if (code === 'ENOTCACHED') return 'npm is set to work offline, and not all it needs is in its cache.';
  if (code === 'EINTEGRITY')
    return 'what came is not what the lock file lists: a network in between sent something else.';
  if (code === 'EUSAGE') return 'package.json and package-lock.json say different things. Get both anew.';
  if (/^E[45]\d\d$/.test(code))
    return `the package registry that npm is set to refused (${code.slice(1)}). Try again later, or with another registry.`;
  if (noConnection.test(written)) return 'it needs a connection to the package registry, this once.';
  return 'what npm wrote above says why.';
}

const notWritable = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'EEXIST', 'EISDIR']);
const noConnection =
  /\b(?:ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ECONNABORTED|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|ERR_SOCKET_TIMEOUT|UNABLE_TO_\w+|CERT_\w+|SELF_SIGNED_\w+)\b/;
