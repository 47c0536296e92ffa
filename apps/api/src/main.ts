import { createApp } from './create-app.js';
import { readConfig } from './config/config.js';
import { stopInOrder } from './platform/operations/stop-in-order.js';

const config = readConfig(process.env);
const app = await createApp(config);
stopInOrder(app, config.drainSeconds);
await app.listen(config.port, config.host);
