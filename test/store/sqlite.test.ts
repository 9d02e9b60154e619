import { storeContract } from './contract.ts';
import { sqliteEngine } from './sqliteEngine.ts';

storeContract(sqliteEngine());
