using ArchUnitNET.Domain;
using ArchUnitNET.Domain.Extensions;
using ArchUnitNET.Loader;

namespace Spindlewright.Tests.House;

/// <summary>Holds the arrows of <c>arrows.txt</c>, the one list of who may use whom.</summary>
public class ArchitectureTests
{
    private static readonly Architecture Ours = new ArchLoader().LoadAssemblies(
        typeof(Foundations.Guard).Assembly, typeof(Figures.Figure).Assembly, typeof(Notebooks.Format.Notebook).Assembly,
        typeof(Kernel.Engine.ChildEngine).Assembly).Build();

    private static readonly IReadOnlyDictionary<string, string[]> Arrows = File
        .ReadAllLines(Repository.File("tests/Spindlewright.Tests/House/arrows.txt"))
        .Where(line => line.Length > 0 && line[0] != '#')
        .Select(line => line.Split(':'))
        .ToDictionary(parts => parts[0], parts => parts[1].Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static IEnumerable<IType> OurTypes => Ours.Types.Where(type => Room(type) is not null);

    [Fact]
    public void Every_type_of_ours_stands_in_a_room_of_the_list()
    {
        var homeless = Ours.Types.Where(type =>
            type.Namespace.FullName.StartsWith("Spindlewright", StringComparison.Ordinal) && Room(type) is null);
        None(homeless.Select(type => type.FullName));
        Assert.True(OurTypes.Count() > 100, "the architecture was not loaded");
    }

    [Fact]
    public void Nothing_uses_what_the_list_does_not_allow()
    {
        var against =
            from type in OurTypes
            let room = Room(type)!
            from dependency in type.Dependencies
            // A generic method is named after whoever calls it with a type of its own; that is no arrow.
            where dependency.Target is not GenericParameter
            let other = Room(dependency.Target)
            where other is not null && other != room && !IsAllowed(room, other)
            select $"{type.FullName} uses {dependency.Target.FullName}";
        None(against);
    }

    [Fact]
    public void The_test_sees_an_arrow_that_is_not_allowed() =>
        // Studies use Machines; were the arrow missing from the list, the test above would have to say so.
        Assert.Contains(
            OurTypes.Where(type => Room(type) == "Spindlewright.Studies").SelectMany(type => type.Dependencies),
            dependency => Room(dependency.Target) == "Spindlewright.Machines" && !IsAllowed("Spindlewright.Belts", "Spindlewright.Machines"));

    [Fact]
    public void The_list_has_no_circle()
    {
        foreach (var room in Arrows.Keys) Assert.DoesNotContain(room, Reach(room, []));
    }

    [Theory]
    [InlineData("Microsoft.DotNet.Interactive", "Spindlewright.Kernel.Engine")]
    [InlineData("Plotly.NET", "Spindlewright.Figures", "Spindlewright.Kernel.Showing")]
    [InlineData("Tomlyn", "Spindlewright.Machines.Text")]
    [InlineData("nietras.SeparatedValues", "Spindlewright.Foundations.Tables")]
    [InlineData("Spectre.Console", "Spindlewright.Kernel.Commands")]
    [InlineData("System.CommandLine", "Spindlewright.Kernel.Commands")]
    [InlineData("Markdig", "Spindlewright.Kernel.Report")]
    public void A_library_of_others_is_touched_in_its_room_only(string library, params string[] rooms)
    {
        var against =
            from type in OurTypes
            from dependency in type.Dependencies
            where Within(dependency.Target.Namespace?.FullName, library)
                && !rooms.Any(room => Within(type.Namespace.FullName, room))
            select $"{type.FullName} uses {dependency.Target.FullName}";
        None(against);
    }

    [Theory]
    [InlineData("System.Console")]
    [InlineData("System.Net.Http.HttpClient")]
    [InlineData("System.Random")]
    [InlineData("System.Diagnostics.Stopwatch")]
    [InlineData("System.Threading.Timer")]
    public void The_library_has_no_console_no_network_no_clock_and_no_dice(string forbidden)
    {
        var against =
            from type in OurTypes
            where !Room(type)!.StartsWith("Spindlewright.Kernel", StringComparison.Ordinal) && Room(type) != "Spindlewright.Notebooks"
            from dependency in type.Dependencies
            where dependency.Target.FullName == forbidden
            select $"{type.FullName} uses {forbidden}";
        None(against);
    }

    [Fact]
    public void No_namespace_shares_its_name_with_a_type()
    {
        var types = OurTypes.Select(type => type.Name).ToHashSet(StringComparer.Ordinal);
        var shared = OurTypes.SelectMany(type => type.Namespace.FullName.Split('.')).Where(types.Contains).Distinct();
        None(shared);
    }

    private static void None(IEnumerable<string> against)
    {
        var told = string.Join('\n', against.Distinct());
        if (told.Length > 0) Assert.Fail(told);
    }

    private static bool IsAllowed(string room, string other) =>
        // What the whole library may be used by, each of its rooms may.
        Arrows[room].Contains(other) || (Arrows[room].Contains("Spindlewright") && !IsProject(other));

    private static bool IsProject(string room) =>
        room is "Spindlewright.Kernel" or "Spindlewright.Figures" or "Spindlewright.Notebooks";

    private static string? Room(IType type) =>
        Arrows.Keys.FirstOrDefault(room => Within(type.Namespace?.FullName, room));

    private static bool Within(string? name, string room) =>
        name is not null && (name == room || name.StartsWith($"{room}.", StringComparison.Ordinal));

    private static HashSet<string> Reach(string room, HashSet<string> seen)
    {
        foreach (var next in Arrows.GetValueOrDefault(room, []))
            if (seen.Add(next)) Reach(next, seen);
        return seen;
    }
}
