export { nearest } from '../values/nearest.ts';
