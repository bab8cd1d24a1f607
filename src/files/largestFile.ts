/** The most that a car file may weigh, bytes. */
export const largestFile = 1024 * 1024;
