// The name of the lock on the book: whoever holds it may write.
export const kLock = 'cotter-book';
