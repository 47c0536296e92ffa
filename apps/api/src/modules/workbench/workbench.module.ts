import { Module } from '@nestjs/common';
import { BikesModule } from '../bikes/bikes.module.js';
import { BlindingModule } from '../blinding/blinding.module.js';
import { DecisionsModule } from '../decisions/decisions.module.js';
import { DemandModule } from '../demand/demand.module.js';
import { RidersModule } from '../riders/riders.module.js';
import { SetupsModule } from '../setups/setups.module.js';
import { SpacersModule } from '../spacers/spacers.module.js';
import { SpringUnitsModule } from '../spring-units/spring-units.module.js';
import { TracksModule } from '../tracks/tracks.module.js';
import { SpringModule } from '../spring/spring.module.js';
import { BikeEndsService } from './bike-ends.service.js';
import { BikeQuestions } from './bike-questions.js';
import { BikeRecordsReader } from './bike-records.js';
import { BikeSpringController } from './bike-spring.controller.js';
import { BikeWorkshopController } from './bike-workshop.controller.js';
import { FreezeExpectation } from './freeze-expectation.js';
import { MakeChange } from './make-change.js';
import { SetUpBikeController } from './set-up-bike.controller.js';
import { SetUpBike } from './set-up-bike.js';
import { WorkbenchController } from './workbench.controller.js';

@Module({
  imports: [
    BikesModule,
    BlindingModule,
    DecisionsModule,
    DemandModule,
    RidersModule,
    SetupsModule,
    SpacersModule,
    SpringModule,
    SpringUnitsModule,
    TracksModule,
  ],
  controllers: [WorkbenchController, BikeSpringController, BikeWorkshopController, SetUpBikeController],
  providers: [BikeEndsService, BikeQuestions, BikeRecordsReader, FreezeExpectation, MakeChange, SetUpBike],
})
export class WorkbenchModule {}
