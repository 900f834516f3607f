export type * from './contract';
