using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class Schemes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "findings_sha256",
                schema: "lab",
                table: "rating",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "measures_sha256",
                schema: "lab",
                table: "rating",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "scheme_sha256",
                schema: "lab",
                table: "rating",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "scheme_document",
                schema: "lab",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    file = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_scheme_document", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "recomputation",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    kind = table.Column<string>(type: "text", nullable: false),
                    scheme = table.Column<string>(type: "text", nullable: false),
                    scheme_sha256 = table.Column<string>(type: "text", nullable: false),
                    method_edition = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recomputation", x => x.id);
                    table.ForeignKey(
                        name: "fk_recomputation_scheme_document_scheme_sha256",
                        column: x => x.scheme_sha256,
                        principalSchema: "lab",
                        principalTable: "scheme_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "scheme_adoption",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    key = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_scheme_adoption", x => x.id);
                    table.ForeignKey(
                        name: "fk_scheme_adoption_scheme_document_sha256",
                        column: x => x.sha256,
                        principalSchema: "lab",
                        principalTable: "scheme_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "scheme_edition",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    key = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_scheme_edition", x => x.id);
                    table.ForeignKey(
                        name: "fk_scheme_edition_scheme_document_sha256",
                        column: x => x.sha256,
                        principalSchema: "lab",
                        principalTable: "scheme_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "method_promotion",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    edition = table.Column<string>(type: "text", nullable: false),
                    recomputation_id = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_method_promotion", x => x.id);
                    table.ForeignKey(
                        name: "fk_method_promotion_recomputation_row_recomputation_id",
                        column: x => x.recomputation_id,
                        principalSchema: "lab",
                        principalTable: "recomputation",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "recomputation_event",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    recomputation_id = table.Column<long>(type: "bigint", nullable: false),
                    @event = table.Column<string>(name: "event", type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recomputation_event", x => x.id);
                    table.ForeignKey(
                        name: "fk_recomputation_event_recomputation_row_recomputation_id",
                        column: x => x.recomputation_id,
                        principalSchema: "lab",
                        principalTable: "recomputation",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "recomputation_item",
                schema: "lab",
                columns: table => new
                {
                    recomputation_id = table.Column<long>(type: "bigint", nullable: false),
                    test = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recomputation_item", x => new { x.recomputation_id, x.test });
                    table.ForeignKey(
                        name: "fk_recomputation_item_recomputation_row_recomputation_id",
                        column: x => x.recomputation_id,
                        principalSchema: "lab",
                        principalTable: "recomputation",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_recomputation_item_test_run_test",
                        column: x => x.test,
                        principalSchema: "lab",
                        principalTable: "test_run",
                        principalColumn: "test",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "recomputation_step",
                schema: "lab",
                columns: table => new
                {
                    recomputation_id = table.Column<long>(type: "bigint", nullable: false),
                    test = table.Column<string>(type: "text", nullable: false),
                    outcome = table.Column<string>(type: "text", nullable: false),
                    before_id = table.Column<long>(type: "bigint", nullable: true),
                    after_id = table.Column<long>(type: "bigint", nullable: true),
                    note = table.Column<string>(type: "text", nullable: true),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_recomputation_step", x => new { x.recomputation_id, x.test });
                    table.ForeignKey(
                        name: "fk_recomputation_step_rating_after_id",
                        column: x => x.after_id,
                        principalSchema: "lab",
                        principalTable: "rating",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_recomputation_step_rating_before_id",
                        column: x => x.before_id,
                        principalSchema: "lab",
                        principalTable: "rating",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_recomputation_step_recomputation_item_recomputation_id_test",
                        columns: x => new { x.recomputation_id, x.test },
                        principalSchema: "lab",
                        principalTable: "recomputation_item",
                        principalColumns: new[] { "recomputation_id", "test" },
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_rating_scheme_scheme_sha256",
                schema: "lab",
                table: "rating",
                columns: new[] { "scheme", "scheme_sha256" });

            migrationBuilder.CreateIndex(
                name: "ix_rating_scheme_sha256",
                schema: "lab",
                table: "rating",
                column: "scheme_sha256");

            migrationBuilder.CreateIndex(
                name: "ix_method_promotion_recomputation_id",
                schema: "lab",
                table: "method_promotion",
                column: "recomputation_id");

            migrationBuilder.CreateIndex(
                name: "ix_recomputation_scheme_sha256",
                schema: "lab",
                table: "recomputation",
                column: "scheme_sha256");

            migrationBuilder.CreateIndex(
                name: "ix_recomputation_event_recomputation_id",
                schema: "lab",
                table: "recomputation_event",
                column: "recomputation_id");

            migrationBuilder.CreateIndex(
                name: "ix_recomputation_item_test",
                schema: "lab",
                table: "recomputation_item",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_recomputation_step_after_id",
                schema: "lab",
                table: "recomputation_step",
                column: "after_id");

            migrationBuilder.CreateIndex(
                name: "ix_recomputation_step_before_id",
                schema: "lab",
                table: "recomputation_step",
                column: "before_id");

            migrationBuilder.CreateIndex(
                name: "ix_recomputation_step_test",
                schema: "lab",
                table: "recomputation_step",
                column: "test");

            migrationBuilder.CreateIndex(
                name: "ix_scheme_adoption_sha256",
                schema: "lab",
                table: "scheme_adoption",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_scheme_edition_key_id",
                schema: "lab",
                table: "scheme_edition",
                columns: new[] { "key", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_scheme_edition_sha256",
                schema: "lab",
                table: "scheme_edition",
                column: "sha256");

            migrationBuilder.AddForeignKey(
                name: "fk_rating_scheme_document_scheme_sha256",
                schema: "lab",
                table: "rating",
                column: "scheme_sha256",
                principalSchema: "lab",
                principalTable: "scheme_document",
                principalColumn: "sha256",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_rating_scheme_document_scheme_sha256",
                schema: "lab",
                table: "rating");

            migrationBuilder.DropTable(
                name: "method_promotion",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "recomputation_event",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "recomputation_step",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "scheme_adoption",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "scheme_edition",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "recomputation_item",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "recomputation",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "scheme_document",
                schema: "lab");

            migrationBuilder.DropIndex(
                name: "ix_rating_scheme_scheme_sha256",
                schema: "lab",
                table: "rating");

            migrationBuilder.DropIndex(
                name: "ix_rating_scheme_sha256",
                schema: "lab",
                table: "rating");

            migrationBuilder.DropColumn(
                name: "findings_sha256",
                schema: "lab",
                table: "rating");

            migrationBuilder.DropColumn(
                name: "measures_sha256",
                schema: "lab",
                table: "rating");

            migrationBuilder.DropColumn(
                name: "scheme_sha256",
                schema: "lab",
                table: "rating");
        }
    }
}
