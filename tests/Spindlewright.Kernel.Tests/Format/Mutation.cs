using System.Text;
using System.Text.Json.Nodes;

namespace Spindlewright.Kernel.Tests.Format;

/// <summary>Damages a notebook: bytes flipped, cut, doubled or swapped, or JSON values put where they do not belong.</summary>
internal static class Mutation
{
    private static readonly string[] Values =
    [
        "\"\\ud83d\"", "null", "true", "3", "-1", "1e999", "4.0", "12345678901234567890", "\"\"", "\"code\"", "[]", "{}",
        "[[[]]]", "{\"text/plain\": 1}", "[null]", "[\"a\", {}]", "\"\\u0000\"",
    ];

    public static byte[] Of(byte[] bytes, Random random) =>
        random.Next(2) == 0 ? Tree(bytes, random) : Flat(bytes, random);

    private static byte[] Flat(byte[] bytes, Random random)
    {
        var list = bytes.ToList();
        for (var count = random.Next(1, 4); count > 0 && list.Count > 2; count--)
        {
            var at = random.Next(list.Count);
            var length = Math.Min(random.Next(1, 40), list.Count - at);
            switch (random.Next(5))
            {
                case 0:
                    list[at] = (byte)random.Next(256);
                    break;
                case 1:
                    list.RemoveRange(at, length);
                    break;
                case 2:
                    list.InsertRange(random.Next(list.Count), list.GetRange(at, length));
                    break;
                case 3:
                    list.InsertRange(at, Encoding.UTF8.GetBytes(Values[random.Next(Values.Length)]));
                    break;
                default:
                    list.RemoveRange(at, list.Count - at);
                    break;
            }
        }

        return [.. list];
    }

    private static byte[] Tree(byte[] bytes, Random random)
    {
        var root = JsonNode.Parse(bytes)!;
        var places = new List<(JsonNode Parent, string? Key, int Index)>();
        Gather(root, places);
        var (parent, key, index) = places[random.Next(places.Count)];
        var value = JsonNode.Parse(Values[random.Next(1, Values.Length)]); // the first cannot be written from a node
        if (parent is JsonObject map)
        {
            if (random.Next(4) == 0)
                map.Remove(key!);
            else
                map[key!] = value;
        }
        else
        {
            parent.AsArray()[index] = value;
        }

        return Encoding.UTF8.GetBytes(root.ToJsonString());
    }

    private static void Gather(JsonNode? node, List<(JsonNode, string?, int)> places)
    {
        if (node is JsonObject map)
        {
            foreach (var (key, value) in map)
            {
                places.Add((map, key, 0));
                Gather(value, places);
            }
        }
        else if (node is JsonArray list)
        {
            for (var index = 0; index < list.Count; index++)
            {
                places.Add((list, null, index));
                Gather(list[index], places);
            }
        }
    }
}
