/** What the phone's storage refused, and what to do about it. Nothing of a refused write is kept half. */
export const trouble = {
  notKept: "Not kept.",
  kinds: {
    quota: "The storage of this phone is full. Save a backup file, then delete photos or other data.",
    blockedUpgrade: "Another tab holds an older version open. Close it and reload this page.",
    closed: "The storage was closed, perhaps by a newer tab. Reload the page.",
    aborted: "The browser gave up writing. Nothing was changed. Try again.",
    unavailable: "This browser keeps nothing here, as in a private window. Use an ordinary window.",
    newerVersion: "A newer Nidor wrote this data. Reload to get the newer one.",
    corrupt: "This record is damaged. It was set aside and is part of the next backup.",
    unknownId: "It is not here any more.",
    unexpected: "Something unforeseen happened. Try again, and save a backup file.",
  },
  memoryOnly: (why: string) => `Nothing can be kept: when this page closes, all is gone. ${why}`,
  silent: "The storage of this phone does not answer. Close other tabs of Nidor and load this page again.",
  lost: {
    title: "The browser threw your data away",
    text: "Meals, photos, samples and settings that were here are gone, as can happen when space runs short. A backup file brings them back.",
    bringIn: "Bring in a backup",
    later: "Not now",
  },
  profileLost:
    "Your diet and allergies could not be read. Nothing is warned of until you have entered them again under You.",
};
