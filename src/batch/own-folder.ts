/** The folder of our own files in the output folder: the lock, and what is known of each pack. */
export const OWN_FOLDER = '.shuntbook';
