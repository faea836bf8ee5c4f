namespace Spindlewright.SkeletonTests; public class P { [Fact] public void X() { } }
