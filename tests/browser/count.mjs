// The last lines of a run: which tests were left out and why, which passed only when tried again, how many passed, and
// how many did not, those that never ran among them.
export default class Count {
  onBegin(_, suite) {
    this.suite = suite;
  }

  onExit() {
    const tests = this.suite?.allTests() ?? [];
    const again = tests.filter((test) => test.outcome() === 'flaky');
    again.forEach((test) => console.log(`passed only when tried again: ${test.title}`));
    const whyNot = (test) => test.annotations.find(({ type }) => type === 'skip')?.description;
    const leftOut = tests.filter((test) => test.outcome() === 'skipped' && whyNot(test) !== undefined);
    leftOut.forEach((test) => console.log(`NOT TRIED: ${test.title}: ${whyNot(test)}`));
    const passed = tests.filter((test) => test.outcome() === 'expected').length + again.length;
    console.log(`${passed} passed, ${tests.length - passed - leftOut.length} failed`);
  }
}
