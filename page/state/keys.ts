import { mixAgain } from './actions.js';
import { benchKey } from './bench/keys.js';
import { nextLine } from './next-line.js';
import { redoSeen, undoSeen } from './undo.js';
import { isFitted, nearer } from './view.js';
import { touched } from './work.js';

/** What undoes by itself what is typed in it. */
const TYPED = 'input:is([type="text"], [type="search"], [type="number"]), textarea, dialog';

/** Keys that work everywhere but where something is being typed. */
export function listenToKeys(): void {
  addEventListener('keydown', (event) => {
    const isCommand = event.ctrlKey || event.metaKey;
    const own = isCommand ? TYPED : `${TYPED}, input, select`;
    if ((event.target as HTMLElement).closest(own)) return;
    if (benchKey(event)) return;
    const key = event.key.toLowerCase();
    const does = isCommand
      ? key === 'z'
        ? event.shiftKey
          ? redoSeen
          : undoSeen
        : key === 'y'
          ? redoSeen
          : null
      : plain(key);
    if (!does) return;
    event.preventDefault();
    void does();
  });
}

function plain(key: string): (() => unknown) | null {
  switch (key) {
    case 'm':
      return () => void mixAgain();
    case 'escape':
      return () => {
        touched.value = null;
      };
    case '+':
    case '=':
      return () => nearer(1.3);
    case '-':
      return () => nearer(1 / 1.3);
    case 'n':
      return () => nextLine(1);
    case 'p':
      return () => nextLine(-1);
    case '0':
      return () => {
        isFitted.value = true;
      };
    default:
      return null;
  }
}
