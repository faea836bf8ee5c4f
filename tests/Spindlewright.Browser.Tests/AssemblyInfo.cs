using Spindlewright.Browser.Tests;

// One browser and one set of pages serve all tests; both are costly.
[assembly: AssemblyFixture(typeof(Chromium))]
[assembly: AssemblyFixture(typeof(Reports))]
