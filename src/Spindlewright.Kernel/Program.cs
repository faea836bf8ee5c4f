using Spindlewright.Kernel.Engine.Child;

if (ChildEntry.IsChild(args))
    return ChildEntry.Run(args);
return 0;
