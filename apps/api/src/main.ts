import { createApp } from './create-app.js';
import { readConfig } from './config/config.js';

const config = readConfig(process.env);
const app = await createApp(config);
await app.listen(config.port, config.host);
