/** Names in the data folder. */
export const STORE_NAME = "leebench.db";
export const LOCK_NAME = "service.lock";
export const BACKUP_FOLDER_NAME = "backup";
