import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { InputError } from '../input-error.js';
import { packageFolder } from './dictionary.js';
import { print, printJson } from './print.js';

/** Where the built page is. */
const PAGE = join(packageFolder, 'dist', 'seamwright.html');

/**
 * Serves the page on the loopback address, until the process is ended, and prints where.
 * @throws InputError when it has not been built, or the port is taken
 */
export async function servePage({
  port = 0,
  open,
  json,
}: {
  port?: number;
  open?: true;
  json?: true;
}): Promise<void> {
  if (!existsSync(PAGE)) {
    throw new InputError('no-page', PAGE, 'has not been built', 'run npm run build in this clone');
  }
  const page = readFileSync(PAGE);
  const server = createServer(({ method, url }, response) => {
    const isPage = (method === 'GET' || method === 'HEAD') && url === '/';
    response.writeHead(isPage ? 200 : 404, {
      'content-type': isPage ? 'text/html; charset=utf-8' : 'text/plain',
      'x-content-type-options': 'nosniff',
    });
    response.end(isPage && method === 'GET' ? page : undefined);
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', () =>
      reject(
        new InputError('port-taken', `--port ${port}`, 'cannot be had', 'name another, or leave it away'),
      ),
    );
    server.listen(port, '127.0.0.1', resolve);
  });
  const address = `http://127.0.0.1:${(server.address() as { port: number }).port}/`;
  await (json ? printJson({ address, file: PAGE }) : print(`The page is at ${address} (Ctrl+C ends it)`));
  if (open) openBrowser(address);
}

/** Asks the system for its browser; where it has none the address is told all the same. */
function openBrowser(address: string): void {
  const [command, ...words] =
    process.platform === 'darwin'
      ? ['open']
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '']
        : ['xdg-open'];
  spawn(command, [...words, address], { stdio: 'ignore', detached: true }).on('error', () => {});
}
