import { Module } from '@nestjs/common';
import { LongQuestions } from './long-questions.js';
import { LongSpringController } from './long-spring.controller.js';
import { SpringController } from './spring.controller.js';

@Module({
  controllers: [SpringController, LongSpringController],
  providers: [LongQuestions],
  exports: [LongQuestions],
})
export class SpringModule {}
