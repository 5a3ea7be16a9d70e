// The last lines of a run: which tests passed only when tried again, how many passed, and how many did not, those that
// never ran among them.
export default class Count {
  onBegin(_, suite) {
    this.suite = suite;
  }

  onExit() {
    const tests = this.suite?.allTests() ?? [];
    const again = tests.filter((test) => test.outcome() === 'flaky');
    again.forEach((test) => console.log(`passed only when tried again: ${test.title}`));
    const passed = tests.filter((test) => test.outcome() === 'expected').length + again.length;
    console.log(`${passed} passed, ${tests.length - passed} failed`);
  }
}
