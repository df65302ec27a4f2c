/** What is done with an item at goods-in. */
export type ItemTask = 'receive' | 'count' | 'inspect' | 'retire';
