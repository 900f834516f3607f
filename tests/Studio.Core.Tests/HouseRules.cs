using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace Studio.Core.Tests;

/// <summary>
/// The core is told everything: it opens no file, no connection and asks no clock. Read from the compiled assembly,
/// where no alias, implicit import or comment can mislead.
/// </summary>
public class HouseRules
{
    private static readonly string[] Libraries =
    [
        "NodaTime",
        "CsvHelper",
        "Google.OrTools",
        "Ical.Net",
    ];

    private static readonly string[] Text = ["System.IO.TextReader", "System.IO.StringReader"];

    private static readonly string[] Outside =
    [
        "System.IO.",
        "System.Net.",
        "System.Console.",
        "System.Diagnostics.Process.",
        "System.Diagnostics.Stopwatch.",
        "System.TimeProvider.",
        "NodaTime.SystemClock.",
        "CsvHelper.CsvReader.FromFile",
        "System.DateTime.get_Now",
        "System.DateTime.get_UtcNow",
        "System.DateTime.get_Today",
        "System.DateTimeOffset.get_Now",
        "System.DateTimeOffset.get_UtcNow",
        "System.Environment.get_TickCount",
    ];

    [Fact]
    public void The_core_references_no_framework_and_no_storage() =>
        Assert.Empty(ForeignReferences(typeof(Refusal).Assembly));

    [Fact]
    public void The_core_opens_nothing_and_asks_no_clock() =>
        Assert.Empty(Reaches(typeof(Refusal).Assembly));

    [Fact]
    public void These_rules_find_what_they_look_for()
    {
        // This assembly refers to xunit, reads files, and asks both clocks here.
        Assert.NotEqual(default, SystemClock.Instance.GetCurrentInstant());
        Assert.NotEqual(default, DateTime.UtcNow);
        var tests = typeof(HouseRules).Assembly;
        Assert.Contains(
            ForeignReferences(tests),
            name => name.StartsWith("xunit", StringComparison.Ordinal)
        );
        var reaches = Reaches(tests);
        Assert.Contains("System.IO.File.OpenText", reaches);
        Assert.Contains("System.DateTime.get_UtcNow", reaches);
        Assert.Contains("NodaTime.SystemClock.get_Instance", reaches);
    }

    private static List<string> ForeignReferences(Assembly assembly) =>
        [
            .. assembly
                .GetReferencedAssemblies()
                .Select(reference => reference.Name!)
                .Where(name =>
                    !Libraries.Contains(name)
                    && name is not ("netstandard" or "mscorlib")
                    && !name.StartsWith("System.", StringComparison.Ordinal)
                ),
        ];

    private static List<string> Reaches(Assembly assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly.Location));
        var metadata = file.GetMetadataReader();
        return
        [
            .. metadata
                .MemberReferences.Select(metadata.GetMemberReference)
                .Where(member => member.Parent.Kind == HandleKind.TypeReference)
                .Select(member =>
                    (
                        Type: Name(metadata, (TypeReferenceHandle)member.Parent),
                        Member: metadata.GetString(member.Name)
                    )
                )
                .Where(used => !Text.Contains(used.Type))
                .Select(used => $"{used.Type}.{used.Member}")
                .Where(name =>
                    Outside.Any(prefix => name.StartsWith(prefix, StringComparison.Ordinal))
                )
                .Distinct()
                .Order(),
        ];
    }

    private static string Name(MetadataReader metadata, TypeReferenceHandle handle)
    {
        var type = metadata.GetTypeReference(handle);
        return $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}";
    }
}
