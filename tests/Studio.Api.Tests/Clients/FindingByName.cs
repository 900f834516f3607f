using Studio.Api.Clients;

namespace Studio.Api.Tests.Clients;

public class FindingByName
{
    // Letters and their decompositions: the Unicode Character Database, read as text for this table.
    [Theory]
    [InlineData("José Ångström", "jose angstrom")]
    [InlineData("JOSE\u0301", "josé")]
    [InlineData("Łucja Đurić", "lucja duric")]
    [InlineData("Nguyễn Thị", "nguyen thi")]
    [InlineData("Groß", "gross")]
    [InlineData("Sørensen", "SORENSEN")]
    public void Does_not_mind_marks_on_letters(string name, string typed)
    {
        var words = SearchText.Words(typed);
        Assert.True(SearchText.NameHolds(words, name));
        Assert.All(words, w => Assert.Contains(SearchText.Like(w).Trim('%'), SearchText.Of(name)));
    }

    [Fact]
    public void Minds_which_letters_they_are() =>
        Assert.False(SearchText.NameHolds(SearchText.Words("jose marta"), "José María"));
}
