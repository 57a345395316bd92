/** Which piece of work this tab has: it outlives a reload of the tab, and a crash. */
const OWN = 'seamwright work';

export const ownId = (): string | null => sessionStorage.getItem(OWN);
export const rememberId = (id: string): void => sessionStorage.setItem(OWN, id);

/**
 * Takes a piece of work for this tab alone, until the tab is closed.
 * @returns whether it could be had: not while another tab has it
 */
export function claim(id: string): Promise<boolean> {
  return new Promise((resolve) => {
    void navigator.locks.request(`seamwright ${id}`, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock && new Promise<never>(() => {});
    });
  });
}
