import { safetyShard } from './safetyShard.ts';

safetyShard(3);
