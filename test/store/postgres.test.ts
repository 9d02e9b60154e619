import { storeContract } from './contract.ts';
import { postgresEngine } from './postgresEngine.ts';

storeContract(postgresEngine());
