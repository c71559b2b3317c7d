import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The walks through every screen take longest and their files are shortest: begun last, one worker would wait for them. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const usual = await super.sort(files);
    const isWalk = ({ moduleId }: TestSpecification) => moduleId.includes('/screens-of-');
    return [...usual.filter(isWalk), ...usual.filter((file) => !isWalk(file))];
  }
}
