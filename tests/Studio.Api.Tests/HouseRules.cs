namespace Studio.Api.Tests;

public class HouseRules
{
    [Fact]
    public void The_core_references_no_framework_and_no_storage() =>
        Assert.NotNull(typeof(Studio.Core.Refusal).Assembly);
}
