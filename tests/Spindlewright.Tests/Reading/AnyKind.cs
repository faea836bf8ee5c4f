using Spindlewright.Foundations.Reading;

namespace Spindlewright.Tests.Reading;

/// <summary>Reads and writes through a kind whose value type a test does not know.</summary>
internal abstract class AnyKind
{
    public abstract QuantityKind Kind { get; }

    public static IEnumerable<AnyKind> All => QuantityKinds.All.Select(Of);

    public static AnyKind Named(string name) => Of(QuantityKinds.All.Single(kind => kind.Name == name));

    public abstract QuantityFault? Fault(string? text);

    public abstract double BaseValue(string text);

    public abstract string WriteExactly(double baseValue, MeasureSystem system);

    public abstract string Write(double baseValue, MeasureSystem system);

    private static AnyKind Of(QuantityKind kind) => (AnyKind)Activator.CreateInstance(
        typeof(Typed<>).MakeGenericType(kind.GetType().GenericTypeArguments), kind)!;

    private sealed class Typed<T>(QuantityKind<T> kind) : AnyKind where T : struct
    {
        public override QuantityKind Kind => kind;

        public override QuantityFault? Fault(string? text)
        {
            var read = QuantityReader.TryRead(text, kind, out _, out var fault);
            Assert.Equal(read, fault is null);
            return fault;
        }

        public override double BaseValue(string text) => kind.ToBase(QuantityReader.Read(text, kind));

        public override string WriteExactly(double baseValue, MeasureSystem system) =>
            QuantityWriter.WriteExactly(kind.FromBase(baseValue), kind, system);

        public override string Write(double baseValue, MeasureSystem system) =>
            QuantityWriter.Write(kind.FromBase(baseValue), kind, system);
    }
}
