using System.Runtime.CompilerServices;

// The inner loops in plain SI doubles are tested directly.
[assembly: InternalsVisibleTo("Spindlewright.Tests")]
