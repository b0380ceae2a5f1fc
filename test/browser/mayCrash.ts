/**
 * Chromium's emulated radio now and then takes the whole browser down when it is refused or lost while it still
 * discovers. Only such a death of the tool earns another try; a claim that failed never does.
 */
export const MAY_CRASH = {
  retry: { count: 2, condition: /Target page, context or browser has been closed|Target crashed/ },
};
