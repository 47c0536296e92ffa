import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { RunsModule } from '../runs/runs.module.js';
import { ScatterModule } from '../scatter/scatter.module.js';
import { SessionsModule } from '../sessions/sessions.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { TestPlansModule } from '../test-plans/test-plans.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { ClosedPlans } from './closed-plans.js';
import { ComparisonsController } from './comparisons.controller.js';
import { ComparisonsService } from './comparisons.service.js';

@Module({
  imports: [
    BikesModule,
    BlindingModule,
    RunsModule,
    ScatterModule,
    SessionsModule,
    SetupsModule,
    TestPlansModule,
    TracksModule,
  ],
  controllers: [ComparisonsController],
  providers: [ComparisonsService, ClosedPlans],
  exports: [ClosedPlans],
})
export class ComparisonsModule {}
