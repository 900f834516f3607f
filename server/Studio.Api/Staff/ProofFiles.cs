using Studio.Api.Data;

namespace Studio.Api.Staff;

/// <summary>The files that prove qualifications.</summary>
public sealed class ProofFiles(DataFolder folder, Seal seal) : SealedFiles(folder.Proofs, seal);
