using MathNet.Numerics;
using Spindlewright.Kernel.Commands;
using Spindlewright.Kernel.Engine.Child;
using Spindlewright.Kernel.Showing;

// The matrices of a fit have a dozen rows, and to share one out among threads takes longer than to solve it.
Control.UseSingleThread();
return ChildEntry.IsChild(args) ? ChildEntry.Run(args, new DomainFormatters()) : CommandTree.Run(args);
