/** Whether a page was opened under an address that no other device can reach. */
export const isThisDeviceOnly = (host: string): boolean => /^(localhost$|127\.|\[::1\])/.test(host);
